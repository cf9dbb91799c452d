package org.benchtrail.ticket.coach;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.training.CoachText;
import org.benchtrail.core.training.CoachTexts;

/** The coach's texts, read once at the start; the server does not start if one is missing or too many. */
@Startup
@ApplicationScoped
public class CoachFile {
    private static final String RESOURCE = "/training/coach.yaml";
    private static final ObjectMapper YAML = new ObjectMapper(YAMLFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES);

    private final CoachTexts texts;

    CoachFile() {
        try (InputStream file = CoachFile.class.getResourceAsStream(RESOURCE)) {
            if (file == null) {
                throw new IllegalStateException("no resource " + RESOURCE);
            }
            texts = read(new String(file.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(RESOURCE, e);
        }
    }

    /** An entry of the file. */
    record Written(
            @JsonProperty(required = true) String why,
            @JsonProperty(required = true) String good,
            @JsonProperty(required = true) String example,
            @JsonProperty(required = true) String poor,
            @JsonProperty(required = true) String fails,
            @JsonProperty(required = true) CoachText.Judge judge) {}

    /**
     * @throws IOException if it is not the file of texts
     * @throws IllegalArgumentException if the texts are not those of the requirements
     */
    static CoachTexts read(String yaml) throws IOException {
        Map<String, Written> entries = YAML.readValue(yaml, new TypeReference<>() {});
        List<CoachText> all = new ArrayList<>();
        entries.forEach((code, w) -> all.add(CoachText.of(code, w.why, w.good, w.example, w.poor, w.fails, w.judge)));
        return new CoachTexts(all);
    }

    public CoachTexts texts() {
        return texts;
    }
}
