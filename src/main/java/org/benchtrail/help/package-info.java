/** Help that belongs to no feature: the page of keys. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.help;
