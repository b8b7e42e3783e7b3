# Finney (1947): constriction of the skin's vessels after breathing in so much air at such a rate; one subject-trial a row.
source("../common.R")
volume <- c(3.70,3.50,1.25,0.75,0.80,0.70,0.60,1.10,0.90,0.90,0.80,0.55,0.60,1.40,0.75,2.30,3.20,0.85,1.70,1.80,0.40,0.95,1.35,1.50,1.60,0.60,1.80,0.95,1.90,1.60,2.70,2.35,1.10,1.10,1.20,0.80,0.95,0.75,1.30)
rate <- c(0.825,1.09,2.50,1.50,3.20,3.50,0.75,1.70,0.75,0.45,0.57,2.75,3.00,2.33,3.75,1.64,1.60,1.415,1.06,1.80,2.00,1.36,1.35,1.36,1.78,1.50,1.50,1.90,0.95,0.40,0.75,0.03,1.83,2.20,2.00,3.33,1.90,1.90,1.625)
k <- c(1,1,1,1,1,1,0,0,0,0,0,0,0,1,1,1,1,1,0,1,0,0,0,0,1,0,1,0,1,0,1,0,0,1,1,1,0,0,1); n <- rep(1, 39)
write_case_csv(data.frame(volume, rate, frames = n, keepers = k), "table.csv")
X <- cbind(`(Intercept)` = 1, logVolume = log(volume), logRate = log(rate))
fit <- glm(cbind(k, n - k) ~ X - 1, binomial, control = tight()); names(fit$coefficients) <- colnames(X)
pub <- c(-2.875, 5.179, 4.562)
write_case_json(list(case = "vaso-constriction", data = "table.csv", model = "logit p = a + b log(volume) + c log(rate), natural logarithms", versions = vers(),
  # glm's own standard errors are those of the step before its last.
  ml = modifyList(glm_block(fit, k, n), list(coef = named(coef(fit)), se = setNames(as.list(sqrt(diag(solve(crossprod(X, X * fitted(fit) * (1 - fitted(fit))))))), colnames(X)))),
  profile_95_exact = lapply(setNames(1:3, colnames(X)), function(j) as.list(glm_profile_ci(X, k, n, j))),
  jeffreys_own = firth_block(X, k, n),
  published_check = list(pregibon = pub, deviance = 29.23, max_abs_diff = max(abs(coef(fit) - pub)))), "expected.json")
