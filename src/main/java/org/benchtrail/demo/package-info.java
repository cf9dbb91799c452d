/** Invented firms, people, devices and tickets, loaded from YAML by the demo and by the {@code load} command. */
@org.jspecify.annotations.NullMarked
package org.benchtrail.demo;
