# Fits many small sets of colonies with R's survival package, one JSON line a set.
# usage: Rscript survivalPeer.R sets.csv   (columns: set,yard,entry,exit,status,mites,treated,washDay,wash)
# A colony with a washDay has a second mite count `wash`, known from that day on.
suppressMessages(library(survival))
all <- read.csv(commandArgs(trailingOnly = TRUE)[1])
numbers <- function(x) paste(ifelse(is.finite(x), sprintf("%.15g", x), "null"), collapse = ",")
for (d in split(all, all$set)) {
  d$dur <- d$exit - d$entry
  k <- survfit(Surv(entry, exit, status) ~ 1, data = d, conf.type = "log-log"); at <- k$n.event > 0
  s <- survdiff(Surv(dur, status) ~ yard, data = d)
  m <- coxph(Surv(entry, exit, status) ~ mites + treated, data = d, ties = "efron", control = coxph.control(eps = 1e-12, iter.max = 50))
  control <- coxph.control(eps = 1e-12, iter.max = 50)
  z <- coxph(Surv(entry, exit, status) ~ mites + treated + strata(yard), data = d, ties = "efron", control = control)
  d$id <- seq_len(nrow(d))
  v <- tmerge(d, d, id = id, lost = event(exit, status), tstart = entry, tstop = exit)
  v <- tmerge(v, data.frame(id = rep(d$id, 2), at = c(d$entry, d$washDay), count = c(d$mites, d$wash))[c(rep(TRUE, nrow(d)), !is.na(d$washDay)), ], id = id, now = tdc(at, count))
  v$now <- ifelse(is.na(v$now), v$mites, v$now)
  w <- coxph(Surv(tstart, tstop, lost) ~ now + treated + strata(yard), data = v, ties = "efron", control = control)
  cat(sprintf('{"set":%d,"rows":%d,"strata":[%s],"strataSe":[%s],"strataLoglik":%.15g,"split":[%s],"splitSe":[%s],"splitLoglik":%.15g,"time":[%s],"survival":[%s],"low":[%s],"high":[%s],"chiSquare":%.15g,"cox":[%s],"se":[%s],"loglik":%.15g}\n',
    d$set[1], nrow(v), numbers(coef(z)), numbers(sqrt(diag(z$var))), z$loglik[2], numbers(coef(w)), numbers(sqrt(diag(w$var))), w$loglik[2],
    numbers(k$time[at]), numbers(k$surv[at]), numbers(k$lower[at]), numbers(k$upper[at]), s$chisq,
    numbers(coef(m)), numbers(sqrt(diag(m$var))), m$loglik[2]))
}
