# Fits many small sets of colonies with R's survival package, one JSON line a set.
# usage: Rscript survivalPeer.R sets.csv   (columns: set,yard,entry,exit,status,mites,treated)
suppressMessages(library(survival))
all <- read.csv(commandArgs(trailingOnly = TRUE)[1])
numbers <- function(x) paste(ifelse(is.finite(x), sprintf("%.15g", x), "null"), collapse = ",")
for (d in split(all, all$set)) {
  d$dur <- d$exit - d$entry
  k <- survfit(Surv(entry, exit, status) ~ 1, data = d, conf.type = "log-log"); at <- k$n.event > 0
  s <- survdiff(Surv(dur, status) ~ yard, data = d)
  m <- coxph(Surv(entry, exit, status) ~ mites + treated, data = d, ties = "efron", control = coxph.control(eps = 1e-12, iter.max = 50))
  cat(sprintf('{"set":%d,"time":[%s],"survival":[%s],"low":[%s],"high":[%s],"chiSquare":%.15g,"cox":[%s],"se":[%s],"loglik":%.15g}\n',
    d$set[1], numbers(k$time[at]), numbers(k$surv[at]), numbers(k$lower[at]), numbers(k$upper[at]), s$chisq,
    numbers(coef(m)), numbers(sqrt(diag(m$var))), m$loglik[2]))
}
