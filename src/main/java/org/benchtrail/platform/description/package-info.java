/** What endpoints say of their answers where their return type does not. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.description;
