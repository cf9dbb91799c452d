package org.benchtrail;

import org.junit.platform.suite.api.ExcludeTags;
import org.junit.platform.suite.api.SelectPackages;
import org.junit.platform.suite.api.Suite;

/** What is computed and decided, without a server; how fast it is has a run of its own. */
@Suite
@SelectPackages("org.benchtrail.core")
@ExcludeTags("speed")
class CoreSuite {}
