/** Knowledge: known causes and closed cases, written as by-products of closing tickets, found again by words and findings. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.knowledge;
