package org.benchtrail.platform.problem;

import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.IOException;
import org.benchtrail.core.Invalid;

/** An endpoint that takes a body is never called without one: an empty body and the JSON word null are refused here. */
@Provider
public class BodyNeeded implements ReaderInterceptor {
    @Override
    public Object aroundReadFrom(ReaderInterceptorContext body) throws IOException {
        Object read = body.proceed();
        if (read == null) {
            throw new Invalid("body", "Send a JSON object as the body.");
        }
        return read;
    }
}
