/** One search over tickets, devices and known causes. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.search;
