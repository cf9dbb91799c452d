/** The limits readings are held against: published ones, and those the shop adds. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.limits;
