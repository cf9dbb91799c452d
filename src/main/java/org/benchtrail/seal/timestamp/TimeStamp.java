package org.benchtrail.seal.timestamp;

import java.time.Instant;

/**
 * What an authority says: that a text existed at a time.
 *
 * @param by subject of the certificate that it signed with
 */
public record TimeStamp(Instant at, String by) {}
