package org.benchtrail.core.diagnosis;

/**
 * A recorded fact that answers a finding by itself.
 *
 * @param sign what the fact says, such as {@code changed/HARDWARE/YES} or {@code bench/rails/standby-bad}
 * @param finding id in the same category
 * @param value one of the finding's values; empty if the sign is a number, which is judged like a reading
 * @param source how it is known
 */
public record Feed(String sign, String finding, String value, Source source) {}
