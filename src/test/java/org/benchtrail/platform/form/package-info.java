@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.form;
