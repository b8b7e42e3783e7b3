# Posteriors of four invented clubs by long chains of a general-purpose sampler.
# Run in this folder: Rscript make.R few|both|nested|lens ITERATIONS THIN
# Needs JAGS and the package rjags (Debian: jags, r-cran-rjags).
suppressPackageStartupMessages(library(rjags))
arguments <- commandArgs(TRUE)
case <- arguments[1]; iterations <- as.integer(arguments[2]); thin <- as.integer(arguments[3])
seeds <- c(few = 101, both = 102, nested = 103, lens = 104)
set.seed(seeds[[case]])

# A club: photographers, setups, speeds in log2 seconds, frames a speed, the sds of half points and log steepness.
club <- function(photographers, setups, speeds, frames, tau, steep, setup, ceiling) {
  rows <- list()
  for (j in seq_len(photographers)) {
    t <- rnorm(1, 0, tau); l <- rnorm(1, 0, steep)
    for (k in seq_len(setups)) {
      u <- rnorm(1, 0, setup)
      p <- ceiling * plogis(1.6 * exp(l) * (-4.5 + t + u - speeds))
      rows[[length(rows) + 1]] <- data.frame(photographer = sprintf("p%02d", j), setup = sprintf("s%d", k),
        log2_seconds = speeds, frames = frames, keepers = rbinom(length(speeds), frames, p))
    }
  }
  do.call(rbind, rows)
}

# The same with a stabilised lens that buys each photographer another number of stops.
stabilised <- function(photographers, speeds, frames, tau, buys, spread) {
  do.call(rbind, lapply(seq_len(photographers), function(j) {
    t <- rnorm(1, 0, tau); e <- rnorm(1, buys, spread)
    do.call(rbind, lapply(c("off", "lens"), function(mode) data.frame(photographer = sprintf("p%02d", j), mode = mode, log2_seconds = speeds, frames = frames,
      keepers = rbinom(length(speeds), frames, plogis(1.6 * (-4.5 + t + (mode == "lens") * e - speeds))))))
  }))
}

cells <- switch(case,
  lens = stabilised(10, -7:-1, 3, 0.8, 2.2, 0.7),
  few = club(24, 1, c(-6, -5, -4), 1, 1.2, 0, 0, 1),
  both = club(8, 1, -8:-1, 4, 0.8, 0.3, 0, 0.97),
  nested = club(6, 3, c(-7, -5.5, -4, -2.5), 4, 0.8, 0.25, 0.5, 1))
cells$exposure_s <- sprintf("%.17g", 2^cells$log2_seconds)
write.csv(cells[, c("photographer", if (case == "lens") "mode" else "setup", "exposure_s", "frames", "keepers")], paste0(case, ".csv"), row.names = FALSE, quote = FALSE)

text <- switch(case,
  lens = "model {
    for (i in 1:N) { y[i] ~ dbin(ilogit(exp(logb) * (tau[p[i]] + lens[i] * (buys + more[p[i]]) - x[i])), n[i]) }
    for (j in 1:P) { tau[j] ~ dnorm(tau0, 1 / (st * st)); shift[j] <- tau[j] - tau0; more[j] ~ dnorm(0, 1 / (sl * sl)) }
    tau0 ~ dnorm(-6, 1 / 9); logb ~ dnorm(log(1.6), 1 / (0.35 * 0.35)); buys ~ dnorm(2, 1 / (1.5 * 1.5)); st ~ dnorm(0, 1) T(0, ); sl ~ dnorm(0, 1 / (0.75 * 0.75)) T(0, ) }",
  few = "model {
    for (i in 1:N) { y[i] ~ dbin(ilogit(exp(logb) * (tau[p[i]] - x[i])), n[i]) }
    for (j in 1:P) { tau[j] ~ dnorm(tau0, 1 / (st * st)); shift[j] <- tau[j] - tau0 }
    tau0 ~ dnorm(-6, 1 / 9); logb ~ dnorm(log(1.6), 1 / (0.35 * 0.35)); st ~ dnorm(0, 1) T(0, ) }",
  both = "model {
    for (i in 1:N) { y[i] ~ dbin(ceiling * ilogit(exp(logb + steep[p[i]]) * (tau[p[i]] - x[i])), n[i]) }
    for (j in 1:P) {
      tau[j] ~ dnorm(tau0, 1 / (st * st)); shift[j] <- tau[j] - tau0
      z[j] ~ dnorm(0, 1); steep[j] <- sb * (rho * shift[j] / st + sqrt(1 - rho * rho) * z[j]) }
    tau0 ~ dnorm(-6, 1 / 9); logb ~ dnorm(log(1.6), 1 / (0.35 * 0.35)); loss ~ dbeta(1.2, 38.8); ceiling <- 1 - loss
    st ~ dnorm(0, 1) T(0, ); sb ~ dnorm(0, 16) T(0, ); r ~ dbeta(2, 2); rho <- 2 * r - 1 }",
  nested = "model {
    for (i in 1:N) { y[i] ~ dbin(ilogit(exp(logb + steep[p[i]]) * (half[s[i]] - x[i])), n[i]) }
    for (j in 1:P) {
      tau[j] ~ dnorm(tau0, 1 / (st * st)); shift[j] <- tau[j] - tau0
      z[j] ~ dnorm(0, 1); steep[j] <- sb * (rho * shift[j] / st + sqrt(1 - rho * rho) * z[j]) }
    for (k in 1:S) { half[k] ~ dnorm(tau[of[k]], 1 / (ss * ss)); own[k] <- half[k] - tau[of[k]] }
    tau0 ~ dnorm(-6, 1 / 9); logb ~ dnorm(log(1.6), 1 / (0.35 * 0.35))
    st ~ dnorm(0, 1) T(0, ); sb ~ dnorm(0, 16) T(0, ); ss ~ dnorm(0, 4) T(0, ); r ~ dbeta(2, 2); rho <- 2 * r - 1 }")

photographer <- as.integer(factor(cells$photographer))
setup <- if (case != "lens") as.integer(factor(paste(cells$photographer, cells$setup)))
data <- list(N = nrow(cells), y = cells$keepers, n = cells$frames, x = cells$log2_seconds, p = photographer, P = max(photographer))
if (case == "lens") data$lens <- as.numeric(cells$mode == "lens")
if (case == "nested") { data$s <- setup; data$S <- max(setup); data$of <- photographer[match(seq_len(max(setup)), setup)] }
watched <- c("tau0", "logb", "st", "shift", if (case %in% c("both", "nested")) c("sb", "rho", "steep"), if (case == "lens") c("buys", "sl", "more"), if (case == "both") "ceiling", if (case == "nested") c("ss", "own"))

chains <- lapply(1:4, function(chain) list(tau0 = -4.5, .RNG.name = "base::Mersenne-Twister", .RNG.seed = seeds[[case]] * 10 + chain))
model <- jags.model(textConnection(text), data, chains, n.chains = 4, n.adapt = 5000, quiet = TRUE)
update(model, 5000, progress.bar = "none")
draws <- coda.samples(model, watched, n.iter = iterations, thin = thin, progress.bar = "none")
all <- as.matrix(draws)
natural <- colnames(all) %in% c("logb", "sb") | grepl("^steep", colnames(all))
all[, natural] <- all[, natural] / log(2) # base two, as reports have it
names <- sub("^logb$", "log2b", colnames(all))
table <- data.frame(name = names, mean = colMeans(all), sd = apply(all, 2, sd), t(apply(all, 2, quantile, c(0.05, 0.5, 0.95))),
  effective = round(effectiveSize(draws)), rhat = gelman.diag(draws, multivariate = FALSE)$psrf[, 1])
names(table)[4:6] <- c("q05", "q50", "q95")
write.csv(format(table, digits = 7), paste0(case, "-expected.csv"), row.names = FALSE, quote = FALSE)
cat(case, "least effective size", min(table$effective), "largest rhat", max(table$rhat), "\n")
