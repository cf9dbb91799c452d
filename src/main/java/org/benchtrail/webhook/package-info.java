/** Tells other programs of every change, signed, at addresses that whoever runs the server has named. */
@NullMarked
package org.benchtrail.webhook;

import org.jspecify.annotations.NullMarked;
