package org.benchtrail.platform.traces;

import io.opentelemetry.api.common.AttributeKey;
import io.opentelemetry.context.Context;
import io.opentelemetry.sdk.trace.ReadWriteSpan;
import io.opentelemetry.sdk.trace.ReadableSpan;
import io.opentelemetry.sdk.trace.SpanProcessor;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;

/**
 * Takes from every span what stands behind the question mark of an address: the words of a search name people. What a request asks
 * for is told by its path.
 */
@ApplicationScoped
class WithoutQuery implements SpanProcessor {
    private static final AttributeKey<String> QUERY = AttributeKey.stringKey("url.query");
    /** Whole addresses, by the name of today and the one before. */
    private static final List<AttributeKey<String>> ADDRESSES = List.of(
            AttributeKey.stringKey("url.full"),
            AttributeKey.stringKey("http.url"),
            AttributeKey.stringKey("http.target"));

    @Override
    public void onStart(Context parent, ReadWriteSpan span) {
        if (span.getAttribute(QUERY) != null) {
            span.setAttribute(QUERY, "");
        }
        for (AttributeKey<String> address : ADDRESSES) {
            String whole = span.getAttribute(address);
            if (whole != null && whole.indexOf('?') >= 0) {
                span.setAttribute(address, whole.substring(0, whole.indexOf('?')));
            }
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
