# Binary frames of 50 levels, one to five each: presence of H. influenzae in children with otitis, Venables and Ripley (2002), data MASS::bacteria.
source("../common.R"); suppressPackageStartupMessages({ library(MASS); library(lme4); library(glmmTMB) })
d <- bacteria; d$k <- as.integer(d$y == "y"); d$x <- d$week; d$photographer <- as.character(d$ID); d$trt <- c(placebo = "a placebo", drug = "drug", `drug+` = "drug and more")[as.character(d$trt)]
write_case_csv(data.frame(photographer = d$photographer, trt = d$trt, exposure_s = 2^d$x, frames = 1, keepers = d$k), "cells.csv")
ctl <- glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e5, rhobeg = 2e-2, rhoend = 1e-9), tolPwrss = 1e-12)
one <- function(q) {
  m <- glmer(k ~ x + trt + (1 | photographer), d, binomial, nAGQ = q, control = ctl)
  r <- ranef(m, condVar = TRUE)$photographer
  # a frame a row: the saturated log-likelihood is zero, so all node counts share one scale
  list(logLikelihood = as.numeric(logLik(m)), beta = named(fixef(m)), se = named(sqrt(diag(as.matrix(vcov(m))))), sd = sqrt(VarCorr(m)$photographer[1, 1]),
    modes = named(setNames(r[, 1], rownames(r))), modeSds = named(setNames(sqrt(as.numeric(attr(r, "postVar"))), rownames(r))))
}
T <- glmmTMB(k ~ x + trt + (1 | photographer), d, binomial)
write_case_json(list(case = "grouped-bacteria", versions = vers("MASS", "lme4", "glmmTMB"), lme4_laplace = one(1), lme4_9 = one(9), lme4_25 = one(25),
  glmmTMB_laplace = list(logLikelihood = as.numeric(logLik(T)), beta = named(fixef(T)$cond), se = named(sqrt(diag(vcov(T)$cond))), sd = sqrt(VarCorr(T)$cond$photographer[1, 1]))), "expected.json")
