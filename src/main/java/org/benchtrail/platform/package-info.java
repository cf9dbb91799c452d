/** What every feature stands on: problem mapping, headers, forms, time. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform;
