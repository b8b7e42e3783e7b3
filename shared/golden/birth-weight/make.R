# Low weight at birth of 189 children: two covariates in their own units, a factor of three levels, a count.
source("../common.R"); suppressPackageStartupMessages(library(MASS))
d <- birthwt[, c("low", "age", "lwt", "race", "ftv")]
k <- d$low; n <- rep(1, nrow(d))
write_case_csv(data.frame(d[, -1], frames = n, keepers = k), "table.csv")
X <- cbind(`(Intercept)` = 1, age = d$age, lwt = d$lwt, race2 = as.numeric(d$race == 2), race3 = as.numeric(d$race == 3), ftv = d$ftv)
fit <- glm(cbind(k, n - k) ~ X - 1, binomial, control = tight()); names(fit$coefficients) <- colnames(X)
pub <- c(1.295, -0.024, -0.014, 1.004, 0.433, -0.049)
write_case_json(list(case = "birth-weight", data = "table.csv", model = "logit p = X b", versions = vers("MASS"),
  # glm's own standard errors are those of the step before its last.
  ml = modifyList(glm_block(fit, k, n), list(coef = named(coef(fit)), se = setNames(as.list(sqrt(diag(solve(crossprod(X, X * fitted(fit) * (1 - fitted(fit))))))), colnames(X)))),
  profile_95_exact = lapply(setNames(1:6, colnames(X)), function(j) as.list(glm_profile_ci(X, k, n, j))),
  published_check = list(hosmer_lemeshow = pub, loglik = -111.286, max_abs_diff = max(abs(coef(fit) - pub)))), "expected.json")
