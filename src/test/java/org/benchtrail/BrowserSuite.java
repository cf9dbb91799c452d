package org.benchtrail;

import org.junit.platform.suite.api.SelectPackages;
import org.junit.platform.suite.api.Suite;

/** Journeys in a browser. */
@Suite
@SelectPackages("org.benchtrail.browser")
class BrowserSuite {}
