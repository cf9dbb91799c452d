/** The site: its places, teams and devices, its calendar and policies, each with its history. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.site;
