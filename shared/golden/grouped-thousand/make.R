# Invented: 1000 photographers, 4 setups of each, 9 speeds a stop apart about one second, 10 frames a cell. A line of keepers.txt is a photographer: setup by setup, speed by speed, a is ten.
source("../common.R"); suppressPackageStartupMessages({ library(lme4); library(glmmTMB) })
set.seed(20251126)
d <- expand.grid(x = -4:4, setup = paste0("s", 1:4), photographer = sprintf("p%04d", 1:1000), stringsAsFactors = FALSE)
p <- as.integer(factor(d$photographer)); d$own <- paste(d$photographer, d$setup); s <- as.integer(factor(d$own))
d$frames <- 10L
d$keepers <- rbinom(nrow(d), 10, plogis(0.5 - 1.4 * d$x + rnorm(1000, 0, 0.9)[p] + rnorm(4000, 0, 0.5)[s]))
writeLines(apply(matrix(c(0:9, "a")[d$keepers + 1], 36), 2, paste, collapse = ""), "keepers.txt")
f <- cbind(keepers, frames - keepers) ~ x + (1 | photographer) + (1 | own)
bc <- bconst(d$keepers, d$frames)
seconds <- function(work) unname(system.time(work)["elapsed"])
block <- function(m, beta, se, sds) list(logLikelihood = as.numeric(logLik(m)) - bc, beta = named(beta), se = named(se), sds = sds)
tight <- glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e6, rhobeg = 2e-2, rhoend = 1e-9), tolPwrss = 1e-12, check.conv.grad = "ignore")
m <- glmer(f, d, binomial, control = tight)
T <- glmmTMB(f, d, binomial, control = glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-14, x.tol = 1e-12)))
sds <- function(v) lapply(v, function(g) sqrt(g[1, 1]))
write_case_json(list(case = "grouped-thousand", versions = vers("lme4", "glmmTMB"),
  lme4 = block(m, fixef(m), sqrt(diag(as.matrix(vcov(m)))), sds(VarCorr(m))),
  glmmTMB = block(T, fixef(T)$cond, sqrt(diag(vcov(T)$cond)), sds(VarCorr(T)$cond)),
  # as they come, their default settings, one run each
  secondsByDefault = list(lme4 = seconds(glmer(f, d, binomial)), lme4WithoutDerivatives = seconds(glmer(f, d, binomial, control = glmerControl(calc.derivs = FALSE))), lme4Fast = seconds(glmer(f, d, binomial, nAGQ = 0)), glmmTMB = seconds(glmmTMB(f, d, binomial)))), "expected.json")
