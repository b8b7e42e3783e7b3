# Overdispersed counts of seeds and of litters: normal luck on the logit scale and beta-binomial counts.
source("../common.R"); suppressPackageStartupMessages({library(lme4); library(glmmTMB); library(VGAM)})
seeds <- data.frame(burst = sprintf("plate%02d", 1:21),
  seed = rep(c("aegyptiaca75", "aegyptiaca73"), c(11, 10)), extract = c(rep("bean", 5), rep("cucumber", 6), rep("bean", 5), rep("cucumber", 5)),
  keepers = c(10, 23, 23, 26, 17, 5, 53, 55, 32, 46, 10, 8, 10, 8, 23, 0, 3, 22, 15, 32, 3),
  frames = c(39, 62, 81, 51, 39, 6, 74, 72, 51, 79, 13, 16, 30, 28, 45, 4, 12, 41, 30, 51, 7))
data(lirat, package = "VGAM")
litters <- data.frame(burst = sprintf("litter%02d", seq_len(nrow(lirat))), group = paste0("g", lirat$grp), hb = lirat$hb, keepers = lirat$R, frames = lirat$N)
for (n in c("seeds", "litters")) { d <- get(n); d$exposure_s <- 1; write_case_csv(d, paste0(n, ".csv")) }
ctl <- glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e5, rhobeg = 2e-2, rhoend = 1e-9), tolPwrss = 1e-12)
tight <- glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-12))
case <- function(d, f, g) {
  bc <- bconst(d$keepers, d$frames); sat <- sum(dbinom(d$keepers, d$frames, d$keepers / d$frames, log = TRUE))
  normal <- function(q) { m <- glmer(g, d, binomial, nAGQ = q, control = ctl)
    list(nodes = q, beta = named(fixef(m)), sd = sqrt(VarCorr(m)[[1]][1, 1]), logLikelihood = as.numeric(logLik(m)) + (if (q > 1) sat else 0) - bc) }
  L <- glmmTMB(g, d, binomial, control = tight)
  B <- glmmTMB(f, d, glmmTMB::betabinomial(), control = tight)
  V <- vglm(f, betabinomial(lrho = "logitlink"), d, epsilon = 1e-12, maxit = 200, trace = FALSE)
  co <- coef(V); rho <- plogis(co[2])
  list(binomial_constant = bc, lme4_laplace = normal(1), lme4_9 = normal(9), lme4_25 = normal(25), lme4_100 = normal(100),
    glmmTMB_laplace = list(beta = named(fixef(L)$cond), sd = sqrt(VarCorr(L)$cond[[1]][1, 1]), logLikelihood = as.numeric(logLik(L)) - bc),
    glmmTMB_beta = list(beta = named(fixef(B)$cond), se = named(sqrt(diag(vcov(B)$cond))), rho = 1 / (1 + sigma(B)), logLikelihood = as.numeric(logLik(B)) - bc),
    VGAM_beta = list(beta = named(co[-2]), rho = unname(rho), logLikelihood = as.numeric(logLik(V)) - bc))
}
out <- list(case = "burst-luck", versions = vers("lme4", "glmmTMB", "VGAM"),
  seeds = case(seeds, cbind(keepers, frames - keepers) ~ seed * extract, cbind(keepers, frames - keepers) ~ seed * extract + (1 | burst)),
  litters = case(litters, cbind(keepers, frames - keepers) ~ group, cbind(keepers, frames - keepers) ~ group + (1 | burst)))
write_case_json(out, "expected.json")
print(str(out))
