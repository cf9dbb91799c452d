/** The site: when it works, how soon a ticket is due there, what it decides for itself, and since when. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.site;
