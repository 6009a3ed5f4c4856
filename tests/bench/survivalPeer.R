# Times R's survival package on the same rows, for a ratio in one run; see survival.ts for what is timed.
# usage: Rscript survivalPeer.R rows.csv calls   (columns: yard,entry,exit,status,mites,queenAge,treated)
suppressMessages(library(survival))
args <- commandArgs(trailingOnly = TRUE)
d <- read.csv(args[1]); d$dur <- d$exit - d$entry
calls <- as.integer(args[2])
once <- function(f) { gc(FALSE); start <- Sys.time(); value <- f(); list(seconds = as.numeric(difftime(Sys.time(), start, units = "secs")), value = value) }
middle <- function(f) { t <- numeric(calls); for (k in seq_len(calls)) t[k] <- once(f)$seconds; median(t) }
km <- function() survfit(Surv(entry, exit, status) ~ yard, data = d)
lr <- function() survdiff(Surv(dur, status) ~ yard, data = d)
cx <- function() coxph(Surv(entry, exit, status) ~ mites + queenAge + treated, data = d, ties = "efron")
k <- once(km); s <- once(lr); m <- once(cx)
last <- tapply(k$value$surv, rep(names(k$value$strata), k$value$strata), function(x) x[length(x)])
cat(sprintf('{"seconds":{"kaplanMeier":%.6f,"logRank":%.6f,"cox":%.6f},"first":{"kaplanMeier":%.6f,"logRank":%.6f,"cox":%.6f},"last":[%s],"chiSquare":%.15g,"cox":[%s]}\n',
  middle(km), middle(lr), middle(cx), k$seconds, s$seconds, m$seconds, paste(sprintf("%.15g", last), collapse = ","), s$value$chisq,
  paste(sprintf("%.15g", coef(m$value)), collapse = ",")))
