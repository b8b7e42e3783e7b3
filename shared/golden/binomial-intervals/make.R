# Intervals for a rate from a count, by R's own functions. Run from this folder: Rscript make.R
# Writes intervals.csv and compares it with newcombe.csv, the published rows.

# the shortest text that reads back to the same double
num <- function(v) vapply(v, function(z) { for (d in 15:17) { s <- sprintf(paste0("%.", d, "g"), z); if (as.numeric(s) == z) break }; s }, "")

midp <- function(k, n, tail = 0.025) {
  inside <- c(1e-12, 1 - 1e-12)
  lower <- function(p) pbinom(k, n, p, lower.tail = FALSE) + dbinom(k, n, p) / 2 - tail
  upper <- function(p) pbinom(k - 1, n, p) + dbinom(k, n, p) / 2 - tail
  c(if (k == 0) 0 else uniroot(lower, inside, tol = 1e-15)$root, if (k == n) 1 else uniroot(upper, inside, tol = 1e-15)$root)
}
score <- function(k, n, level) suppressWarnings(prop.test(k, n, correct = FALSE, conf.level = level)$conf.int)
exact <- function(k, n, level) binom.test(k, n, conf.level = level)$conf.int

row <- function(k, n) {
  ends <- c(exact(k, n, 0.95), score(k, n, 0.95), exact(k, n, 0.9), score(k, n, 0.9), midp(k, n), qbeta(c(0.025, 0.975), k + 0.5, n - k + 0.5))
  names(ends) <- paste0(rep(c("exact", "wilson", "exact90", "wilson90", "midp", "jeffreys"), each = 2), c("_lower", "_upper"))
  data.frame(keepers = k, frames = n, t(ends))
}
pairs <- list(c(0, 10), c(1, 10), c(5, 10), c(10, 10), c(0, 20), c(1, 29), c(15, 148), c(81, 263), c(7, 12), c(12, 12), c(99, 100), c(3, 1000))
table <- do.call(rbind, lapply(pairs, function(p) row(p[1], p[2])))
write.csv(as.data.frame(lapply(table, num)), "intervals.csv", row.names = FALSE, quote = FALSE)

published <- read.csv("newcombe.csv")
ours <- merge(published, table, sort = FALSE)
ends <- t(vapply(seq_len(nrow(ours)), function(i) as.numeric(ours[i, paste0(ours$method[i], c("_lower", "_upper"))]), c(0, 0)))
stopifnot(nrow(ours) == nrow(published), max(abs(round(ends, 4) - as.matrix(ours[, c("lower", "upper")]))) < 1e-9)
