/** What a person or a program is told when a request goes wrong: one table of kinds, one reader of faults, a page or JSON. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.problem;
