package org.benchtrail.ticket.api;

import com.fasterxml.jackson.databind.JsonNode;
import org.jspecify.annotations.Nullable;

/**
 * A calculation to be made and kept.
 *
 * @param input as for the bench itself
 * @param action entry number of the planned action whose part it checks; null if it checks none
 */
public record BenchOrderJson(
        String calculation, JsonNode input, @Nullable Integer action) {}
