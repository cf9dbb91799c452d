package org.benchtrail.site;

import org.benchtrail.core.site.SiteHistory;

/** The site decided something else; sent within the transaction of the decision, so that whatever depends on it is renewed with it. */
public record SiteChanged(SiteHistory history) {}
