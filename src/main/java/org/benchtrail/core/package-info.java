/**
 * Everything that is computed or decided. Pure Java: the JDK only, no clock, no randomness, no input or output of its own.
 */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core;
