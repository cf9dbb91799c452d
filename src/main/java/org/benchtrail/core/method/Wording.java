package org.benchtrail.core.method;

import org.benchtrail.core.diagnosis.Source;

/**
 * Free words of a fact that may suggest an answer to a finding.
 *
 * @param source how an answer that they suggest would be known
 */
public record Wording(String text, Source source) {}
