# Posterior of each sex's falling curve (keepers = survivors), fitted alone, by plain three-dimensional Gauss-Legendre sums, every node of every sum evaluated afresh.
# P = c / (1 + exp(-b (tau - x))), x = log2(exposure_s); tau ~ normal(2.5, 2), ln b ~ normal(ln 1.6, 0.35), 1 - c ~ beta(1.2, 38.8); floor 0, no luck.
source("../common.R")
t <- read.csv("table.csv")
# reach: tau, ln b, and u with loss = u^5; more than eight sds each way
SEXES <- list(M = list(name = "males", tau = c(0.3, 4.4), beta = c(-1.1, 1.75), at = c(0.5, 2, 3.5)),
              F = list(name = "females", tau = c(-0.8, 7.6), beta = c(-1.9, 1.7), at = c(1, 3, 5)))
U <- c(0, 0.8)
p3 <- c(q025 = .025, q50 = .5, q975 = .975)
gl <- function(m) { i <- seq_len(m - 1); b <- i / sqrt(4 * i^2 - 1); J <- matrix(0, m, m); J[cbind(i, i + 1)] <- b; J[cbind(i + 1, i)] <- b
  e <- eigen(J, symmetric = TRUE); list(x = e$values, w = 2 * e$vectors[1, ]^2) }
on <- function(g, lo, hi) list(x = (lo + hi) / 2 + (hi - lo) / 2 * g$x, w = g$w * (hi - lo) / 2)
# log posterior density in (tau, ln b, u), unnormalised by the evidence only
dens <- function(tau, beta, u) { b <- exp(beta); loss <- u^5; l <- 0
  for (i in seq_along(x)) { s <- plogis(b * (tau - x[i])); r <- plogis(-b * (tau - x[i]))
    l <- l + k[i] * log((1 - loss) * s) + (n[i] - k[i]) * log(loss + (1 - loss) * r) }
  exp(l + 45) * dnorm(tau, 2.5, 2) * dnorm(beta, log(1.6), .35) * dbeta(loss, 1.2, 38.8) * 5 * u^4 }
solve_at <- function(mt, mb, mu) {
  gt <- gl(mt); gb <- gl(mb); gu <- gl(mu); B <- on(gb, BETA[1], BETA[2])
  cube <- function(T, Bn, Un) { g <- expand.grid(t = seq_along(T$x), b = seq_along(Bn$x), u = seq_along(Un$x))
    list(tau = T$x[g$t], beta = Bn$x[g$b], u = Un$x[g$u], w = T$w[g$t] * Bn$w[g$b] * Un$w[g$u]) }
  mass <- function(T, Bn, Un) { g <- cube(T, Bn, Un); sum(g$w * dens(g$tau, g$beta, g$u)) }
  T <- on(gt, TAU[1], TAU[2]); V <- on(gu, U[1], U[2])
  g <- cube(T, B, V); m <- g$w * dens(g$tau, g$beta, g$u); Z <- sum(m); m <- m / Z
  find <- function(f, lo, hi) uniroot(f, c(lo, hi), tol = 1e-11)$root
  summary <- function(v, cdf, back = identity, rising = TRUE, range) { mu <- sum(m * v); c(list(mean = mu, sd = sqrt(sum(m * (v - mu)^2))),
    lapply(p3, function(p) back(find(function(y) cdf(y) - (if (rising) p else 1 - p), range[1], range[2])))) }
  tau <- summary(g$tau, function(y) mass(on(gt, TAU[1], y), B, V) / Z, range = c(TAU[1] + .5, TAU[2] - .5))
  log2b <- summary(g$beta / log(2), function(y) mass(T, on(gb, BETA[1], y), V) / Z, function(y) y / log(2), range = c(BETA[1] + .2, BETA[2] - .2))
  ceiling <- summary(1 - g$u^5, function(y) mass(T, B, on(gu, U[1], y)) / Z, function(y) 1 - y^5, FALSE, c(.05, U[2] - .05))
  # P(rate at x <= r): ceilings at or below r whole; above r the part tau <= x + logit(r / c) / b, the sum over u crowded towards c = r logarithmically
  half <- on(gl(length(gu$x)), 0, 1)
  below <- function(r, miss, at) { e <- min(miss^.2, U[2]); tot <- if (e < U[2]) mass(T, B, on(gu, e, U[2])) else 0
    if (miss^.2 > U[2]) { uu <- e * half$x; wu <- e * half$w; gap <- miss - uu^5 }
    else { v <- 30 * half$x^2; sh <- exp(-v); uu <- e * (1 - sh); wu <- half$w * 60 * half$x * sh * e; gap <- miss * -expm1(5 * log1p(-sh)) }
    bu <- expand.grid(b = seq_along(B$x), u = seq_along(uu)); lim <- pmin(pmax(at + (log(r) - log(gap[bu$u])) / exp(B$x[bu$b]), TAU[1]), TAU[2])
    h <- (lim - TAU[1]) / 2; ta <- TAU[1] + outer(gt$x + 1, h); w <- outer(gt$w, h * B$w[bu$b] * wu[bu$u])
    (tot + sum(w * dens(ta, rep(B$x[bu$b], each = length(gt$x)), rep(uu[bu$u], each = length(gt$x))))) / Z }
  P <- function(at) (1 - g$u^5) * plogis(exp(g$beta) * (g$tau - at))
  rates <- lapply(AT, function(at) { p <- P(at); two <- sum(m * (1 - (1 - p)^6 - 6 * p * (1 - p)^5))
    q <- lapply(p3, function(a) plogis(find(function(e) below(plogis(e), plogis(-e), at) - a, -9, 9)))
    c(list(log2Seconds = at, mean = sum(m * p)), q, list(atLeast1of3 = sum(m * (1 - (1 - p)^3)), atLeast2of6 = two, atLeast2of6InBurstsOf3 = two)) })
  exposures <- lapply(c(.5, .8), function(r) c(list(rate = r), lapply(p3, function(a) find(function(at) below(r, 1 - r, at) - a, -6, 9)),
    list(outOfReach = if ((1 - r)^.2 < U[2]) mass(T, B, on(gu, (1 - r)^.2, U[2])) / Z else 0)))
  list(logEvidence = log(Z) - 45, parameters = list(tau0 = tau, log2b = log2b, ceiling = ceiling), rates = rates, exposures = exposures) }
round9 <- function(v) if (is.list(v)) lapply(v, round9) else signif(v, 10)
cases <- lapply(names(SEXES), function(sex) { s <- SEXES[[sex]]; d <- t[t$sex == sex, ]; d$keepers <- d$frames - d$keepers
  write_case_csv(d[c("exposure_s", "frames", "keepers")], paste0("survivors-", s$name, ".csv"))
  x <<- log2(d$exposure_s); n <<- d$frames; k <<- d$keepers; TAU <<- s$tau; BETA <<- s$beta; AT <<- s$at
  a <- solve_at(60, 40, 40); b <- solve_at(84, 56, 56)
  cat(s$name, "largest change to finer sums:", max(abs(unlist(a) - unlist(b)) / pmax(1, abs(unlist(b)))), "\n")
  c(list(name = paste0("budworm-", s$name, "-surviving"), table = paste0("survivors-", s$name, ".csv"),
    options = list(ceiling = "estimated", floor = "0", luck = "none", tauPrior = list(mean = 2.5, sd = 2), steepnessPrior = list(median = 1.6, logSd = 0.35))), round9(b)) })
write_case_json(list(cases = cases), "posterior.json")
