/** The six steps as rules: facts, job sheet, requirements, decision. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.method;
