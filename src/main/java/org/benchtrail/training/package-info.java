/** Practice jobs: begun, worked on the same job sheet as tickets, debriefed. Kept in a schema of their own. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.training;
