package org.benchtrail.core.method;

import java.time.Instant;

/** What a requirement is judged by: the sheet, the site's policy, the moment, and the move that is tried. */
public record Situation(JobSheet sheet, Policy policy, Instant now, Move move) {}
