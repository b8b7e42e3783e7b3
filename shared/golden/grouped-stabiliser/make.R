# Invented: 30 photographers, 8 speeds a stop apart about one second, 12 frames a cell. rated.csv: stabiliser off or one of four rated stops; modes.csv: off, in the lens, in the body.
# What the stabiliser buys varies by photographer, beside height and slope.
source("../common.R"); suppressPackageStartupMessages({ library(lme4); library(glmmTMB) })
set.seed(20251127)
x <- seq(-3.5, 3.5, 1); who <- sprintf("p%02d", 1:30)
u <- matrix(rnorm(60), 30) %*% chol(matrix(c(0.8, 0.1, 0.1, 0.06), 2)); v <- rnorm(30, 0, 0.25); w <- cbind(lens = rnorm(30, 0, 0.8), body = rnorm(30, 0, 0.5))
r <- expand.grid(x = x, stops = c(0, 4), photographer = who, stringsAsFactors = FALSE); p <- match(r$photographer, who); r$frames <- 12L
r$keepers <- rbinom(nrow(r), 12, plogis(-1.5 + u[p, 1] + (-1.5 + u[p, 2]) * r$x + (0.8 + v[p]) * r$stops))
m <- expand.grid(x = x, mode = c("off", "lens", "body"), photographer = who, stringsAsFactors = FALSE); p <- match(m$photographer, who); m$frames <- 12L
m$lens <- as.numeric(m$mode == "lens"); m$body <- as.numeric(m$mode == "body")
m$keepers <- rbinom(nrow(m), 12, plogis(-0.5 + u[p, 1] - 1.5 * m$x + (2 + w[p, 1]) * m$lens + (2.8 + w[p, 2]) * m$body))
write_case_csv(data.frame(photographer = r$photographer, stabiliser_stops = r$stops, exposure_s = 2^r$x, frames = r$frames, keepers = r$keepers), "rated.csv")
write_case_csv(data.frame(photographer = m$photographer, stabiliser_mode = m$mode, exposure_s = 2^m$x, frames = m$frames, keepers = m$keepers), "modes.csv")
ctl <- glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e6, rhobeg = 2e-2, rhoend = 1e-9), tolPwrss = 1e-12, check.conv.grad = "ignore")
spreads <- function(v) { s <- unlist(unname(lapply(v, function(g) setNames(sqrt(diag(as.matrix(g))), rownames(as.matrix(g)))))); c(as.list(s),
  unlist(unname(lapply(v, function(g) if (nrow(as.matrix(g)) > 1) list(correlation = cov2cor(as.matrix(g))[1, 2]))), recursive = FALSE)) }
both <- function(f, d) {
  L <- glmer(f, d, binomial, control = ctl); bc <- bconst(d$keepers, d$frames)
  T <- glmmTMB(f, d, binomial, control = glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-14, x.tol = 1e-12)))
  re <- as.data.frame(ranef(L, condVar = TRUE))
  effects <- function(column) lapply(split(re, as.character(re$term)), function(g) as.list(setNames(g[[column]], as.character(g$grp))))
  list(L = L, T = T, out = list(
    lme4 = list(logLikelihood = as.numeric(logLik(L)) - bc, beta = named(fixef(L)), se = named(sqrt(diag(as.matrix(vcov(L))))), spreads = spreads(VarCorr(L)), modes = effects("condval"), modeSds = effects("condsd")),
    glmmTMB = list(logLikelihood = as.numeric(logLik(T)) - bc, beta = named(fixef(T)$cond), se = named(sqrt(diag(vcov(T)$cond))), spreads = spreads(VarCorr(T)$cond))))
}
rated <- both(cbind(keepers, frames - keepers) ~ x + stops + (1 + x | photographer) + (0 + stops | photographer), r)
modes <- both(cbind(keepers, frames - keepers) ~ x + lens + body + (1 | photographer) + (0 + lens | photographer) + (0 + body | photographer), m)
# What a rated stop buys each photographer, in stops: -(coefficient + effect) over the photographer's slope, by Fieller from the joint covariance that glmmTMB has.
T <- rated$T; s <- TMB::sdreport(T$obj, par.fixed = T$fit$par, getJointPrecision = TRUE)
V <- solve(as.matrix(s$jointPrecision)); at <- rownames(s$jointPrecision); take <- c(which(at == "beta"), which(at == "b"))
b <- T$obj$env$parList(T$fit$par, T$obj$env$last.par.best)$b; Z <- as.matrix(getME(T, "Z"))
buys <- lapply(setNames(nm = c("p03", "p17", "p30")), function(who) {
  rows <- which(r$photographer == who); z <- function(x, stops) Z[rows[r$x[rows] == x & r$stops[rows] == stops], ]
  A <- rbind(c(0, 0, 1, (z(0.5, 4) - z(0.5, 0)) / 4), c(0, 1, 0, z(0.5, 0) - z(-0.5, 0)))
  l <- drop(A %*% c(fixef(T)$cond, b)); fieller(l[1], l[2], A %*% V[take, take] %*% t(A))[c("point", "lower", "upper")]
})
fits <- list(rated = rated$out, modes = modes$out)
fits$agreement <- lapply(fits, function(f) list(logLikelihood = abs(f$lme4$logLikelihood - f$glmmTMB$logLikelihood), beta = max(abs(unlist(f$lme4$beta) - unlist(f$glmmTMB$beta))), se = max(abs(unlist(f$lme4$se) - unlist(f$glmmTMB$se))), spreads = max(abs(unlist(f$lme4$spreads) - unlist(f$glmmTMB$spreads[names(f$lme4$spreads)])))))
print(str(fits$agreement)); print(str(buys)); print(fits$rated$lme4$spreads); print(fits$modes$lme4$spreads)
write_case_json(list(case = "grouped-stabiliser", versions = vers("lme4", "glmmTMB", "TMB"), fits = fits, buys = buys), "expected.json")
