package org.benchtrail;

import org.junit.platform.suite.api.ExcludePackages;
import org.junit.platform.suite.api.SelectPackages;
import org.junit.platform.suite.api.Suite;

/** Everything that {@link HalfWithBrowser} does not run. */
@Suite
@SelectPackages("org.benchtrail")
@ExcludePackages({
    "org.benchtrail.audit",
    "org.benchtrail.browser",
    "org.benchtrail.catalogue",
    "org.benchtrail.core",
    "org.benchtrail.learning",
    "org.benchtrail.platform",
    "org.benchtrail.proposals",
    "org.benchtrail.training"
})
class OtherHalf {}
