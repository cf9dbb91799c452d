/** Where a fault is, before what it is: paths of segments, tests made from them, and what they say together with the catalogue. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.diagnosis.path;
