package org.benchtrail.platform.traces;

import io.opentelemetry.api.common.AttributeKey;
import io.opentelemetry.context.Context;
import io.opentelemetry.sdk.trace.ReadWriteSpan;
import io.opentelemetry.sdk.trace.ReadableSpan;
import io.opentelemetry.sdk.trace.SpanProcessor;
import jakarta.enterprise.context.ApplicationScoped;

/**
 * Takes from every span what stands behind the question mark of an address: the words of a search name people. What a request asks
 * for is told by its path.
 */
@ApplicationScoped
class WithoutQuery implements SpanProcessor {
    private static final AttributeKey<String> QUERY = AttributeKey.stringKey("url.query");

    @Override
    public void onStart(Context parent, ReadWriteSpan span) {
        if (span.getAttribute(QUERY) != null) {
            span.setAttribute(QUERY, "");
        }
    }

    @Override
    public boolean isStartRequired() {
        return true;
    }

    @Override
    public void onEnd(ReadableSpan span) {}

    @Override
    public boolean isEndRequired() {
        return false;
    }
}
