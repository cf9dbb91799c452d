/** The cause catalogue: its file, its versions, and the models made from them. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.catalogue;
