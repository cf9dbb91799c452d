/** What HTTP itself asks of every address: which methods it knows, whether an answer is still the same, a part of a file. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.http;
