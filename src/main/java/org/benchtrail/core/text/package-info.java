/** What a line, a paragraph and a stored word may hold: the one rule for text, used by every door. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.core.text;
