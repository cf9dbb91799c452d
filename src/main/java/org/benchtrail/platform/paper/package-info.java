/** Pages put on paper: PDF files made from the same templates as the pages. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.paper;
