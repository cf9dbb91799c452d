/** Changes that take two supervisors: proposed by one, confirmed or declined by another, or withdrawn by who proposed it. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.proposals;
