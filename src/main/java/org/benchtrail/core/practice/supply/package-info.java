/** A desk computer's power supply under load, and what feeds it, by closed-form equations. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.practice.supply;
