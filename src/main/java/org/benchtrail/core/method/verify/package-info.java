@org.jspecify.annotations.NullMarked
package org.benchtrail.core.method.verify;
