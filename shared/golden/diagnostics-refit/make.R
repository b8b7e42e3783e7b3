# What each cell of the budworm table does to fits of males and females together, by fitting again without it.
# Run from this folder: Rscript make.R
source("../common.R"); suppressPackageStartupMessages(library(brglm2))
d <- read.csv("../budworm/table.csv"); d$sex <- factor(d$sex, levels = c("F", "M")); d$x <- log2(d$exposure_s)
rate <- 0.8 # the exposure of females at this rate is asked
fits <- list(
  list(estimator = "Likelihood", link = "logit", method = "glm.fit", type = NULL),
  list(estimator = "Likelihood", link = "probit", method = "glm.fit", type = NULL),
  list(estimator = "Likelihood", link = "cloglog", method = "glm.fit", type = NULL),
  list(estimator = "BiasReduced", link = "logit", method = "brglmFit", type = "MPL_Jeffreys"))
fit <- function(f, rows) {
  control <- if (is.null(f$type)) list(epsilon = 1e-14, maxit = 100) else list(epsilon = 1e-12, maxit = 1000, type = f$type)
  glm(cbind(keepers, frames - keepers) ~ x + sex, binomial(f$link), d[rows, ], method = f$method, control = control)
}
# hat values from their definition: weights of Fisher scoring at the estimate
hat <- function(m) {
  X <- model.matrix(m); eta <- drop(X %*% coef(m)); mu <- m$family$linkinv(eta)
  w <- d$frames * m$family$mu.eta(eta)^2 / (mu * (1 - mu))
  rowSums((sqrt(w) * X) %*% solve(crossprod(sqrt(w) * X)) * (sqrt(w) * X))
}
exposure <- function(m) (m$family$linkfun(rate) - coef(m)[["(Intercept)"]]) / coef(m)[["x"]]
cases <- lapply(fits, function(f) {
  whole <- fit(f, seq_len(nrow(d))); h <- hat(whole)
  if (is.null(f$type)) stopifnot(max(abs(h - unname(hatvalues(whole)))) < 1e-7)
  rest <- lapply(seq_len(nrow(d)), function(i) fit(f, -i))
  p <- mapply(function(m, i) m$family$linkinv(sum(model.matrix(whole)[i, ] * coef(m))), rest, seq_len(nrow(d)))
  list(estimator = f$estimator, link = f$link, fitted = unname(whole$family$linkinv(drop(model.matrix(whole) %*% coef(whole)))),
    leverage = unname(h), influence = sapply(rest, exposure) - exposure(whole),
    # the residual is the normal deviate of a chance between these two, as randomised quantile residuals are made
    fewer = pbinom(d$keepers - 1, d$frames, p), nomore = pbinom(d$keepers, d$frames, p),
    logPredictive = dbinom(d$keepers, d$frames, p, log = TRUE) - lchoose(d$frames, d$keepers))
})
write_case_json(list(versions = vers("brglm2"), rate = rate, cases = cases), "expected.json")
