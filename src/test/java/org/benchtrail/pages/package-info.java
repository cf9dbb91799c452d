/** What holds for all templates, their forms and the style sheets, read from the files without a server. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.pages;
