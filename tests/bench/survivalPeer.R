# Times R's survival package on the same rows, for a ratio in one run.
# usage: Rscript survivalPeer.R rows.csv   (columns: yard,entry,exit,status,mites,queenAge,treated)
suppressMessages(library(survival))
d <- read.csv(commandArgs(trailingOnly = TRUE)[1]); d$dur <- d$exit - d$entry
middle <- function(f) { t <- numeric(3); for (k in 1:3) { gc(FALSE); t[k] <- system.time(f())[["elapsed"]] }; sort(t)[2] }
km <- function() survfit(Surv(entry, exit, status) ~ yard, data = d)
lr <- function() survdiff(Surv(dur, status) ~ yard, data = d)
cx <- function() coxph(Surv(entry, exit, status) ~ mites + queenAge + treated, data = d, ties = "efron")
k <- km(); s <- lr(); m <- cx()
last <- tapply(k$surv, rep(names(k$strata), k$strata), function(x) x[length(x)])
cat(sprintf('{"seconds":{"kaplanMeier":%.4f,"logRank":%.4f,"cox":%.4f},"last":[%s],"chiSquare":%.15g,"cox":[%s]}\n',
  middle(km), middle(lr), middle(cx), paste(sprintf("%.15g", last), collapse = ","), s$chisq,
  paste(sprintf("%.15g", coef(m)), collapse = ",")))
