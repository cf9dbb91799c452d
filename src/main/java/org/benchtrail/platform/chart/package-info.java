/** Charts as SVG pictures made on the server: the one drawing that every page uses. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.platform.chart;
