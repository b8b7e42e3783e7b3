# Invented: 40 photographers, 3 setups of each, 8 speeds a stop apart about one second, 12 frames a cell; and the same frames with setups as three lenses in all hands.
source("../common.R"); suppressPackageStartupMessages({ library(lme4); library(glmmTMB) })
set.seed(20251126)
d <- expand.grid(x = seq(-3.5, 3.5, 1), setup = paste0("s", 1:3), photographer = sprintf("p%02d", 1:40), stringsAsFactors = FALSE)
p <- as.integer(factor(d$photographer)); s <- as.integer(factor(paste(d$photographer, d$setup)))
u <- matrix(rnorm(80), 40) %*% chol(matrix(c(1.0, 0.15, 0.15, 0.09), 2)); v <- rnorm(120, 0, 0.6)
lens <- c(0.3, -0.2, 0.1)[as.integer(factor(d$setup))]
d$frames <- 12L
d$keepers <- rbinom(nrow(d), 12, plogis(0.4 + lens + u[p, 1] + v[s] + (-1.5 + u[p, 2]) * d$x))
write_case_csv(data.frame(photographer = d$photographer, setup = d$setup, exposure_s = 2^d$x, frames = d$frames, keepers = d$keepers), "cells.csv")
d$own <- paste(d$photographer, d$setup)
ctl <- glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e6, rhobeg = 2e-2, rhoend = 1e-9), tolPwrss = 1e-12, check.conv.grad = "ignore")
bc <- bconst(d$keepers, d$frames)
spreads <- function(v) lapply(v, function(m) c(named(setNames(sqrt(diag(as.matrix(m))), rownames(as.matrix(m)))), if (nrow(as.matrix(m)) > 1) list(correlation = cov2cor(as.matrix(m))[1, 2])))
modes <- function(r) lapply(r, function(m) lapply(as.list(m), function(column) named(setNames(column, rownames(m)))))
both <- function(f) {
  m <- glmer(f, d, binomial, control = ctl); r <- ranef(m, condVar = TRUE)
  T <- glmmTMB(f, d, binomial, control = glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-14, x.tol = 1e-12)))
  sds <- lapply(r, function(g) { v <- attr(g, "postVar"); if (is.list(v)) lapply(v, function(w) sqrt(w[1, 1, ])) else lapply(seq_len(dim(v)[1]), function(j) sqrt(v[j, j, ])) })
  list(
    lme4 = list(logLikelihood = as.numeric(logLik(m)) - bc, beta = named(fixef(m)), se = named(sqrt(diag(as.matrix(vcov(m))))), spreads = spreads(VarCorr(m)), modes = modes(r), modeSds = sds),
    glmmTMB = list(logLikelihood = as.numeric(logLik(T)) - bc, beta = named(fixef(T)$cond), se = named(sqrt(diag(vcov(T)$cond))), spreads = spreads(VarCorr(T)$cond)))
}
fits <- list(
  nested = both(cbind(keepers, frames - keepers) ~ x + (1 | photographer) + (1 | own)),
  nestedBoth = both(cbind(keepers, frames - keepers) ~ x + (1 + x | photographer) + (1 | own)),
  uncorrelated = both(cbind(keepers, frames - keepers) ~ x + (1 | photographer) + (0 + x | photographer) + (1 | own)),
  slope = both(cbind(keepers, frames - keepers) ~ x + (0 + x | photographer)),
  crossed = both(cbind(keepers, frames - keepers) ~ x + (1 + x | photographer) + (1 | setup)))
fits$agreement <- lapply(fits, function(f) list(logLikelihood = abs(f$lme4$logLikelihood - f$glmmTMB$logLikelihood), beta = max(abs(unlist(f$lme4$beta) - unlist(f$glmmTMB$beta))), se = max(abs(unlist(f$lme4$se) - unlist(f$glmmTMB$se))), spreads = max(abs(unlist(f$lme4$spreads[sort(names(f$lme4$spreads))]) - unlist(f$glmmTMB$spreads[sort(names(f$glmmTMB$spreads))])))))
print(str(fits$agreement))
write_case_json(list(case = "grouped-simulated", versions = vers("lme4", "glmmTMB"), fits = fits), "expected.json")
