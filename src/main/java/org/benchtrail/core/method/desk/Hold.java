package org.benchtrail.core.method.desk;

import java.time.Instant;

/** Follow-up of a hold. */
public record Hold(WaitingFor waitingFor, Instant followUp, String note) {}
