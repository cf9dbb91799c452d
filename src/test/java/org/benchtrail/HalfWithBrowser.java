package org.benchtrail;

import org.junit.platform.suite.api.SelectPackages;
import org.junit.platform.suite.api.Suite;

/** What the whole build runs in one of its two processes: the journeys in the browser, and about as much of the rest as balances it. */
@Suite
@SelectPackages({
    "org.benchtrail.audit",
    "org.benchtrail.browser",
    "org.benchtrail.catalogue",
    "org.benchtrail.core",
    "org.benchtrail.learning",
    "org.benchtrail.platform",
    "org.benchtrail.proposals",
    "org.benchtrail.training"
})
class HalfWithBrowser {}
