package org.benchtrail;

import org.junit.platform.suite.api.ExcludePackages;
import org.junit.platform.suite.api.SelectPackages;
import org.junit.platform.suite.api.Suite;

/** All that the other suites and the tests of the packaged server leave. */
@Suite
@SelectPackages("org.benchtrail")
@ExcludePackages({"org.benchtrail.core", "org.benchtrail.browser", "org.benchtrail.packaged"})
class ServerSuite {}
