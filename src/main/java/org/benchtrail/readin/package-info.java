/** Reading in what devices say about themselves, as a page and an API: looked at first, recorded on a ticket only when asked. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.readin;
