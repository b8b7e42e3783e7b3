# A second opinion on expected.csv in doubles: pbinom, log beta functions and plain convolution. Run from this folder: Rscript agree.R
mass <- function(n, p, rho, top) { j <- 0:min(n, top - 1); a <- p * (1 - rho) / rho; b <- (1 - p) * (1 - rho) / rho
  exp(lchoose(n, j) + lbeta(a + j, b + n - j) - lbeta(a, b)) }
both <- function(u, v, top) { s <- numeric(min(top, length(u) + length(v) - 1)); for (i in seq_along(u)) { m <- min(length(v), length(s) - i + 1)
  if (m > 0) s[i:(i + m - 1)] <- s[i:(i + m - 1)] + u[i] * v[1:m] }; s }
enough <- function(n, p, rho, k, size) { if (n < k) return(0); if (rho == 0) return(pbinom(k - 1, n, p, lower.tail = FALSE)); if (is.na(size)) size <- n
  law <- 1; for (i in seq_len(n %/% size)) law <- both(law, mass(size, p, rho, k), k); if (n %% size > 0) law <- both(law, mass(n %% size, p, rho, k), k); 1 - sum(law) }
e <- read.csv("expected.csv")
at <- mapply(enough, e$frames, e$rate, e$correlation, e$keepers, e$burstsOf); before <- mapply(enough, e$frames - 1, e$rate, e$correlation, e$keepers, e$burstsOf)
cat("largest differences:", max(abs(at - e$attained)), max(abs(before - e$before)), "\n")
s <- read.csv("success-run.csv"); cat("success runs that differ:", sum(ceiling(log(1 - s$confidence) / log(s$reliability) - 1e-12) != s$tests), "\n")
