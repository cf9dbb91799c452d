package org.benchtrail.core.method.identify;

/** A figure of a calculation, as it was shown. */
public record BenchFigure(String name, String value, String unit) {}
