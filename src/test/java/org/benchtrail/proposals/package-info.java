@org.jspecify.annotations.NullMarked
package org.benchtrail.proposals;
