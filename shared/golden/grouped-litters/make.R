# A row a level, half of them all or nothing: deaths in 58 litters of rats by their mothers' haemoglobin, Moore and Tsiatis (1991), data VGAM::lirat. The covariate is the log2 exposure, in grams per decilitre.
source("../common.R"); suppressPackageStartupMessages({ library(lme4); library(glmmTMB) })
data(lirat, package = "VGAM"); d <- lirat
d$x <- d$hb; d$photographer <- sprintf("l%02d", seq_len(nrow(d))); d$group <- paste0("g", d$grp)
write_case_csv(data.frame(photographer = d$photographer, group = d$group, exposure_s = 2^d$x, frames = d$N, keepers = d$R), "cells.csv")
ctl <- glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e5, rhobeg = 2e-2, rhoend = 1e-9), tolPwrss = 1e-12)
bc <- bconst(d$R, d$N)
one <- function(q, f) {
  m <- glmer(f, d, binomial, nAGQ = q, control = ctl)
  r <- ranef(m, condVar = TRUE)$photographer
  # beyond one node lme4 counts from the saturated model
  ll <- if (q == 1) as.numeric(logLik(m)) - bc else { k <- d$R; n <- d$N; as.numeric(logLik(m)) + sum(ifelse(k > 0, k * log(k / n), 0) + ifelse(k < n, (n - k) * log(1 - k / n), 0)) }
  list(logLikelihood = ll, beta = named(fixef(m)), se = named(sqrt(diag(as.matrix(vcov(m))))), sd = sqrt(VarCorr(m)$photographer[1, 1]),
    modes = named(setNames(r[, 1], rownames(r))), modeSds = named(setNames(sqrt(as.numeric(attr(r, "postVar"))), rownames(r))))
}
both <- function(f) {
  T <- glmmTMB(f, d, binomial, control = glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-14, x.tol = 1e-12)))
  list(lme4_laplace = one(1, f), lme4_9 = one(9, f), lme4_25 = one(25, f),
    glmmTMB_laplace = list(logLikelihood = as.numeric(logLik(T)) - bc, beta = named(fixef(T)$cond), se = named(sqrt(diag(vcov(T)$cond))), sd = sqrt(VarCorr(T)$cond$photographer[1, 1])))
}
write_case_json(list(case = "grouped-litters", versions = vers("VGAM", "lme4", "glmmTMB"),
  line = both(cbind(R, N - R) ~ x + (1 | photographer)), groups = both(cbind(R, N - R) ~ x + group + (1 | photographer))), "expected.json")
