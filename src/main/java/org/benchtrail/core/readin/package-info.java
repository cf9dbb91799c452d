/** What devices tell about themselves, read by its published layout into facts that could be recorded. */
@NullMarked
package org.benchtrail.core.readin;

import org.jspecify.annotations.NullMarked;
