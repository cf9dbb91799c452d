package org.benchtrail.trail;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.jsontype.NamedType;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.util.List;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoriesRanked;
import org.jspecify.annotations.Nullable;

/** Facts as JSON: the record's components, and {@code kind} to tell which record it is. The same form in the trail and the API. */
public final class FactJson {
    private FactJson() {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonIgnoreProperties(ignoreUnknown = false)
    private interface Kinded {}

    /** Components that came later than their kind: left out where they are empty, so that old entries keep their bytes. */
    interface Later {
        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable
        Object accuracy();

        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable
        Object guard();

        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable
        Object finding();

        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable
        Object answer();

        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable
        Object causes();

        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable
        Object catalogue();

        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Nullable
        Object known();
    }

    private static final List<Class<? extends Fact>> GREW = List.of(
            ReadingRecorded.class,
            CheckPlanned.class,
            ResultRecorded.class,
            TheoriesRanked.class,
            KnowledgeLinked.class);

    /** Teaches a mapper to read and write facts. */
    public static ObjectMapper teach(ObjectMapper mapper) {
        mapper.addMixIn(Fact.class, Kinded.class);
        GREW.forEach(kind -> mapper.addMixIn(kind, Later.class));
        FactKinds.all().forEach((name, kind) -> mapper.registerSubtypes(new NamedType(kind, name)));
        return mapper;
    }

    /** A mapper for facts from outside: what is unknown or of another type is refused, what is left out is false, 0 or null. */
    public static ObjectMapper forRequests() {
        return mapper().disable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS);
    }

    /** The mapper of the trail: strict, so that nothing is dropped unseen. */
    static ObjectMapper mapper() {
        return teach(JsonMapper.builder()
                .addModule(new JavaTimeModule())
                .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
                .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
                .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .build());
    }
}
