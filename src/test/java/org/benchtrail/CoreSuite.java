package org.benchtrail;

import org.junit.platform.suite.api.SelectPackages;
import org.junit.platform.suite.api.Suite;

/** What is computed and decided, without a server. */
@Suite
@SelectPackages("org.benchtrail.core")
class CoreSuite {}
