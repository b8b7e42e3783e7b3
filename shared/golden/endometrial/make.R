# Heinze and Schemper (2002): grade of 79 tumours; every patient with neovasculation has a high grade.
source("../common.R"); suppressPackageStartupMessages(library(brglm2))
data(endometrial, package = "brglm2")
k <- endometrial$HG; n <- rep(1, nrow(endometrial))
write_case_csv(data.frame(endometrial[, c("NV", "PI", "EH")], frames = n, keepers = k), "table.csv")
X <- cbind(`(Intercept)` = 1, NV = endometrial$NV, PI = endometrial$PI, EH = endometrial$EH)
J <- glm(HG ~ NV + PI + EH, binomial, endometrial, method = "brglmFit", control = list(type = "MPL_Jeffreys", epsilon = 1e-12, maxit = 5000))
own <- firth_block(X, k, n)
rest <- glm(HG ~ PI + EH, binomial, endometrial[endometrial$NV == 0, ], control = tight())
pub <- c(3.775, 2.929, -0.035, -2.604)
write_case_json(list(case = "endometrial", data = "table.csv", model = "logit p = X b; Jeffreys penalty; standard errors from the expected information", versions = vers("brglm2"),
  jeffreys_own = own,
  ml_limits = list(coef = named(coef(rest)), se = named(sqrt(diag(vcov(rest)))), deviance = deviance(rest), note = "NV runs to plus infinity: the others are those of the patients without it"),
  published_check = list(heinze_schemper = pub, max_abs_diff = max(abs(unlist(own$coef) - pub))),
  agreement = list(max_abs_diff_coef_brglm2_own = max(abs(coef(J) - unlist(own$coef))))), "expected.json")
