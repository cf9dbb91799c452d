/** What every feature stands on: database, configuration, clock, paging, problems, layout, security. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform;
