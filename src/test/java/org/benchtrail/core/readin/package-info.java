@org.jspecify.annotations.NullMarked
package org.benchtrail.core.readin;
