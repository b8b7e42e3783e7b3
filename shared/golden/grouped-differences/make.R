# Stops between two photographers with a setup each, of the invented photographers of grouped-simulated, from the joint covariance of coefficients, effects and spreads that glmmTMB has.
source("../common.R"); suppressPackageStartupMessages(library(glmmTMB))
d <- read.csv("../grouped-simulated/cells.csv"); d$x <- log2(d$exposure_s); d$own <- paste(d$photographer, d$setup)
pairs <- list(c("p05", "p11"), c("p11", "p30"), c("p01", "p02"))
tight <- glmmTMBControl(optCtrl = list(iter.max = 1e4, eval.max = 1e4, rel.tol = 1e-14, x.tol = 1e-12))
joint <- function(f) {
  m <- glmmTMB(f, d, binomial, control = tight)
  s <- TMB::sdreport(m$obj, par.fixed = m$fit$par, getJointPrecision = TRUE)
  V <- solve(as.matrix(s$jointPrecision)); at <- rownames(s$jointPrecision)
  Z <- as.matrix(getME(m, "Z")); b <- m$obj$env$parList(m$fit$par, m$obj$env$last.par.best)$b
  list(m = m, V = V, beta = which(at == "beta"), b = which(at == "b"), Z = Z, mode = c(fixef(m)$cond, b))
}
# weights of coefficients and effects that make height at one second and slope of a level
weights <- function(j, photographer) {
  rows <- which(d$photographer == photographer & d$setup == "s1"); x <- d$x[rows]
  Z <- j$Z[rows, ]; first <- which.min(x); last <- which.max(x)
  slope <- (Z[last, ] - Z[first, ]) / (x[last] - x[first])
  rbind(c(1, 0, Z[first, ] - x[first] * slope), c(0, 1, slope))
}
difference <- function(j, a, b, level = 0.95) {
  W <- rbind(weights(j, a), weights(j, b)); l <- drop(W %*% j$mode)
  C <- W %*% j$V[c(j$beta, j$b), c(j$beta, j$b)] %*% t(W)
  t0 <- -l[3] / l[4] + l[1] / l[2]
  cost <- function(t) {
    q <- function(x) { K <- rbind(c(1, x, 0, 0), c(0, 0, 1, x + t)); h <- K %*% l; drop(t(h) %*% solve(K %*% C %*% t(K), h)) }
    grid <- -l[1] / l[2] + seq(-20, 20, 0.05); best <- grid[which.min(sapply(grid, q))]
    optimize(q, best + c(-0.05, 0.05), tol = 1e-10)$objective - qchisq(level, 1)
  }
  list(a = a, b = b, stops = t0, lower = uniroot(cost, t0 - c(3, 1e-3), tol = 1e-11)$root, upper = uniroot(cost, t0 + c(1e-3, 3), tol = 1e-11)$root,
       slopesAlike = isTRUE(all.equal(l[2], l[4])), fieller = if (isTRUE(all.equal(l[2], l[4]))) { D <- rbind(W[3, ] - W[1, ], W[2, ])
         fieller(l[3] - l[1], l[2], D %*% j$V[c(j$beta, j$b), c(j$beta, j$b)] %*% t(D))[c("lower", "upper")] })
}
fits <- lapply(list(nested = cbind(keepers, frames - keepers) ~ x + (1 | photographer) + (1 | own),
                    nestedBoth = cbind(keepers, frames - keepers) ~ x + (1 + x | photographer) + (1 | own)), joint)
out <- lapply(fits, function(j) lapply(pairs, function(p) difference(j, p[1], p[2])))
print(str(out))
write_case_json(list(case = "grouped-differences", versions = vers("glmmTMB", "TMB"), rate = 0.5, setup = "s1", level = 0.95, differences = out), "expected.json")
