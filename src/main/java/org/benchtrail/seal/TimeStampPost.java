package org.benchtrail.seal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Flow;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.benchtrail.seal.timestamp.TimeStampAnswer;

/** Sends a request for a time-stamp (RFC 3161 section 3.4) and takes an answer of bounded size, within bounded time. */
final class TimeStampPost {
    static final int OK = 200;
    static final int NO_STAMP = 0;

    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final String ASKED = "application/timestamp-query";
    private static final String ANSWERED = "application/timestamp-reply";

    private final HttpClient http = HttpClient.newBuilder()
            .connectTimeout(PATIENCE)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
    private final Duration patience;

    TimeStampPost() {
        this(PATIENCE);
    }

    TimeStampPost(Duration patience) {
        this.patience = patience;
    }

    byte[] send(URI address, byte[] request) throws IOException {
        CompletableFuture<HttpResponse<byte[]>> answering = http.sendAsync(
                HttpRequest.newBuilder(address)
                        .header("Content-Type", ASKED)
                        .header("Accept", ANSWERED)
                        .POST(HttpRequest.BodyPublishers.ofByteArray(request))
                        .build(),
                info -> new Bounded());
        try {
            // of the whole answer: the client's own time ends with its first bytes
            HttpResponse<byte[]> answer = answering.get(patience.toMillis(), TimeUnit.MILLISECONDS);
            String type = answer.headers().firstValue("Content-Type").orElse("");
            if (answer.statusCode() != OK || !type.split(";")[0].strip().equalsIgnoreCase(ANSWERED)) {
                throw new IOException("status " + answer.statusCode() + ", type " + type);
            }
            return answer.body();
        } catch (TimeoutException e) {
            throw new IOException("it took longer than " + patience.toSeconds() + " s", e);
        } catch (ExecutionException e) {
            Throwable why = e.getCause() == null ? e : e.getCause();
            String said = why.getMessage();
            throw new IOException(said == null ? why.getClass().getSimpleName() : said, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted", e);
        } finally {
            answering.cancel(true);
        }
    }

    /** Gives up once there is more than any answer has. */
    private static final class Bounded implements HttpResponse.BodySubscriber<byte[]> {
        private final ByteArrayOutputStream taken = new ByteArrayOutputStream();
        private final CompletableFuture<byte[]> whole = new CompletableFuture<>();

        @Override
        public CompletableFuture<byte[]> getBody() {
            return whole;
        }

        @Override
        public void onSubscribe(Flow.Subscription subscription) {
            subscription.request(Long.MAX_VALUE);
        }

        @Override
        public void onNext(List<ByteBuffer> some) {
            for (ByteBuffer one : some) {
                byte[] bytes = new byte[one.remaining()];
                one.get(bytes);
                if (!whole.isDone()) {
                    taken.writeBytes(bytes);
                }
            }
            if (taken.size() > TimeStampAnswer.LONGEST) {
                whole.completeExceptionally(new IOException("the answer is too long"));
            }
        }

        @Override
        public void onError(Throwable why) {
            whole.completeExceptionally(why);
        }

        @Override
        public void onComplete() {
            whole.complete(taken.toByteArray());
        }
    }
}
